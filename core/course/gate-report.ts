import { GRAVITY, normalForce, sidewaysForce, snowLoad } from '../run/index.ts';
import { type CoursePair, chooseEdge, type GateMode } from './edge-choice.ts';
import { type CourseConditions, fillCourseConditions } from './gate-conditions.ts';
import type { Gate } from './gates.ts';
import type { Line } from './line.ts';

/** One pair at one gate, SI and rad. */
export interface GateReading {
  readonly gate: string;
  /** m/s. */
  readonly speed: number;
  /** Least radius of the line around this gate, m. */
  readonly neededRadius: number;
  /** null where no edge angle turns that tightly. */
  readonly neededEdge: number | null;
  /** Edge angle ridden. */
  readonly edge: number;
  readonly lean: number;
  /** Load on both skis, N. */
  readonly load: number;
  /** Under the boot; negative where the needed edge angle does not hold. */
  readonly hold: number;
  /** Mean angle between the skis and the path while drifting. */
  readonly drift: number;
  readonly mode: GateMode;
}

export interface GateReport {
  readonly name: string;
  readonly gates: readonly GateReading[];
  readonly seconds: number;
  /** Work lost in drifting, J. */
  readonly driftWork: number;
  /** m/s. */
  readonly endSpeed: number;
  readonly averageSpeed: number;
}

/** The part of a line that belongs to one gate: from the change of edge above it to the one below. */
interface Reach {
  readonly from: number;
  readonly to: number;
  readonly peak: number;
  readonly curvature: number;
  readonly turn: number;
  readonly side: number;
}

/**
 * Runs a point mass down the line on one pair: slope, friction under the load, drag, and at gates where the
 * pair drifts the snow's sideways force, braking by F_lat sinδ. Where the line leans the skier beyond what the
 * greatest edge angle holds, the speed above that is braked away, as it has to be to stay on the line.
 */
export function gateReport(
  pair: CoursePair,
  line: Line,
  gates: readonly Gate[],
  given: Partial<CourseConditions> = {},
): GateReport {
  const conditions = fillCourseConditions(given);
  const { mass, slope, friction, dragArea, airDensity, holdSpeed } = conditions;
  const normal = normalForce(mass, slope);
  const pull = GRAVITY * Math.sin(slope);
  const mostSideways = GRAVITY * Math.cos(slope) * Math.tan(conditions.greatestEdge - pair.baseBevel);
  const readings: GateReading[] = [];
  let energy = 0.5 * conditions.startSpeed ** 2;
  let seconds = 0;
  let driftWork = 0;

  const advance = (i: number, reach: Reach, drift: number): void => {
    const ds = line.s[i + 1] - line.s[i];
    const speed = Math.sqrt(2 * energy);
    const curvature = (line.curvature[i] + line.curvature[i + 1]) / 2;
    const side = Math.sign(curvature) || 1;
    const heading = (line.heading[i] + line.heading[i + 1]) / 2;
    const radius = Math.abs(curvature) > 1e-9 ? 1 / Math.abs(curvature) : 1e9;
    const sideways = sidewaysForce(mass, speed, radius, slope, heading, side);
    const share = Math.min(1, Math.abs(curvature) / reach.curvature);
    const braking = drift > 0 ? Math.abs(sideways) * Math.sin(drift * share) : 0;
    driftWork += braking * ds;
    if (holdSpeed) {
      seconds += ds / Math.max(speed, 0.1);
      return;
    }
    const before = energy;
    const change =
      pull * (line.y[i + 1] - line.y[i]) - ((friction * snowLoad(sideways, normal) + braking) / mass) * ds;
    // Drag proportional to the energy is integrated exactly, so long steps stay stable.
    const decay = (airDensity * dragArea * ds) / mass;
    const faded = decay > 1e-9 ? -Math.expm1(-decay) / decay : 1;
    energy = Math.max(0.02, before * Math.exp(-decay) + change * faded);
    const mostEnergy = 0.5 * radius * (mostSideways - pull * Math.sin(heading) * side);
    if (energy > mostEnergy && mostEnergy > 0.02) {
      driftWork += mass * (energy - mostEnergy);
      energy = mostEnergy;
    }
    seconds += (2 * ds) / (Math.sqrt(2 * before) + Math.sqrt(2 * energy));
  };

  reaches(line).forEach((reach, g) => {
    const radius = 1 / reach.curvature;
    const heading = line.heading[reach.peak];
    const speedIn = Math.sqrt(2 * energy);
    const entering = chooseEdge(pair, radius, speedIn, heading, reach.side, reach.turn, conditions);
    const { drift } = entering;
    for (let i = reach.from; i < reach.peak; i++) advance(i, reach, drift);
    const speed = Math.sqrt(2 * energy);
    const at =
      speed === speedIn
        ? entering
        : chooseEdge(pair, radius, speed, heading, reach.side, reach.turn, conditions);
    for (let i = reach.peak; i < reach.to; i++) advance(i, reach, drift);
    readings.push({
      gate: gates[g].label,
      speed,
      neededRadius: radius,
      neededEdge: at.neededEdge,
      edge: at.edge,
      lean: at.lean,
      load: at.load,
      hold: at.hold,
      drift: at.drift,
      mode: at.mode,
    });
  });
  return {
    name: pair.name,
    gates: readings,
    seconds,
    driftWork,
    endSpeed: Math.sqrt(2 * energy),
    averageSpeed: line.length / seconds,
  };
}

/** Cuts the line where its curvature changes sign between gates, else halfway along. */
function reaches(line: Line): Reach[] {
  const { gateSamples, turns, curvature, heading } = line;
  const bounds = [0];
  for (let g = 0; g + 1 < gateSamples.length; g++) {
    let at = Math.round((gateSamples[g] + gateSamples[g + 1]) / 2);
    for (let i = gateSamples[g]; i < gateSamples[g + 1]; i++) {
      if (curvature[i] * curvature[i + 1] < 0) {
        at = i + 1;
        break;
      }
    }
    bounds.push(at);
  }
  bounds.push(line.s.length - 1);
  return Array.from(gateSamples, (_, g) => {
    const from = bounds[g];
    const to = bounds[g + 1];
    let peak = gateSamples[g];
    for (let i = from; i <= to; i++) {
      if (Math.abs(curvature[i]) > Math.abs(curvature[peak]) * (1 + 1e-9)) peak = i;
    }
    return {
      from,
      to,
      peak,
      curvature: Math.max(Math.abs(curvature[peak]), 1e-6),
      turn: Math.abs(heading[to] - heading[from]),
      side: Math.sign(curvature[peak]) || turns[g],
    };
  });
}
