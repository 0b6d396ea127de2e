import type { Working } from '../working/index.ts';
import {
  angulationIn,
  type BootOnEdge,
  type BootQuestion,
  bootAnswer,
  footBedOf,
  pushIn,
  solvedOf,
  waistOf,
} from './answer.ts';
import { freeAngulation } from './lever.ts';
import { input, told } from './told.ts';

export { bindingLoadWorkings } from './binding-working.ts';

const LEVER = "Moment of the snow's push about the middle of the foot bed";

/** Every working of the boot, in the order they build on each other. */
export function bootWorkings(question: BootQuestion): Working[] {
  return [
    angulationWorking(question),
    pushWorking(question),
    footBedWorking(question),
    bootMomentWorking(question),
    solvedBootMomentWorking(question) ?? [],
    freeAngulationWorking(question),
    solvedFreeAngulationWorking(question) ?? [],
    edgeAngleLostWorking(question),
  ].flat();
}

/** How far the ski is tipped beyond the lean of the snow's push. */
export function angulationWorking(question: BootQuestion): Working {
  const { edgeAngle, lean } = question;
  return told(['boot.angulation', 'Angulation', '\\gamma', 'theta - psi'], {
    inputs: [
      input('theta', '\\theta', edgeAngle, 'rad', 'edge angle'),
      input('psi', '\\psi', lean, 'rad', "lean of the snow's push from the slope's normal", 'run.lean'),
    ],
    value: angulationIn(question),
    unit: 'rad',
    source: 'Angle between two directions in the frame of the slope',
    status: 'definition',
  });
}

/** The push of the snow, from the part of it that presses along the base's normal. */
export function pushWorking(question: BootQuestion): Working {
  return told(['boot.push', "The snow's push on the ski", 'F', 'N / cos(gamma)'], {
    inputs: [
      input('N', 'N', question.normal, 'N', 'load on the ski, normal to its base'),
      gammaInput(question),
    ],
    value: pushIn(question),
    unit: 'N',
    note: 'The push leans as the skier does; the base is tipped further by the angulation.',
    source: 'Resolution of a force',
  });
}

/** Height of the foot bed over the snow. */
export function footBedWorking(question: BootOnEdge): Working {
  const { standingHeight, bootSoleHeight, heightsStated } = question;
  return told(['boot.footBed', 'Height of the foot bed over the snow', 'H', 'h_s + h_b'], {
    inputs: [
      input('h_s', 'h_s', standingHeight, 'm', 'standing height, snow to sole', 'standingHeightMm'),
      input('h_b', 'h_b', bootSoleHeight, 'm', 'boot sole height, sole to foot bed', 'bootSoleHeightMm'),
    ],
    value: footBedOf(question),
    unit: 'm',
    note: heightsStated
      ? undefined
      : 'The pair does not state both heights: what it leaves out is the greatest that the rules allow a racer, 50 and 43 mm.',
    source: 'Sum of two heights',
    status: 'definition',
  });
}

/** Moment the boot must carry, with the push at the waist's edge under the boot centre. */
export function bootMomentWorking(question: BootQuestion): Working {
  const { aside, below } = waistOf(question);
  const names = ['boot.moment', 'Moment on the boot, the push at the waist', 'M'] as const;
  return told([...names, 'F * (y_w * cos(gamma) - H * sin(gamma))'], {
    inputs: [
      pushInput(question),
      input('y_w', 'y_w', aside, 'm', 'half the waist', 'waistWidthMm'),
      gammaInput(question),
      input('H', 'H', below, 'm', 'height of the foot bed over the snow', 'boot.footBed'),
    ],
    value: bootAnswer(question).moment,
    unit: 'N*m',
    note: 'Positive flattens the ski, negative tips it further.',
    source: LEVER,
  });
}

/** The same with the push where the solved pressure has its centre; null where the groove is not solved. */
export function solvedBootMomentWorking(question: BootQuestion): Working | null {
  const { centre } = question;
  const value = bootAnswer(question).solvedMoment;
  if (centre === null || value === null) return null;
  const names = ['boot.solvedMoment', 'Moment on the boot, the push where the snow presses', 'M'] as const;
  return told([...names, 'F * (y_p * cos(gamma) - (H - z_p) * sin(gamma))'], {
    inputs: [
      pushInput(question),
      input(
        'y_p',
        'y_p',
        centre.aside,
        'm',
        "the pressure's centre from the ski's midline",
        'carve.turnRadius',
      ),
      gammaInput(question),
      input('H', 'H', footBedOf(question), 'm', 'height of the foot bed over the snow', 'boot.footBed'),
      input(
        'z_p',
        'z_p',
        centre.rise,
        'm',
        "the pressure's centre over the base under the boot",
        'carve.turnRadius',
      ),
    ],
    value,
    unit: 'N*m',
    note:
      'Read off the solved groove. On a carved arc tip and tail lie further in than the waist and, the ski being bent, ' +
      'higher: what they carry moves the centre out. In soft snow the ski stands on a broad strip: that moves it back.',
    source: LEVER,
  });
}

/** Angulation at which the push passes through the foot. */
export function freeAngulationWorking(question: BootOnEdge): Working {
  const { aside, below } = waistOf(question);
  const names = ['boot.freeAngulation', 'Angulation at which the boot carries nothing', '\\gamma_0'] as const;
  return told([...names, 'atan2(y_w, H)'], {
    inputs: [
      input('y_w', 'y_w', aside, 'm', 'half the waist', 'waistWidthMm'),
      input('H', 'H', below, 'm', 'height of the foot bed over the snow', 'boot.footBed'),
    ],
    value: freeAngulation({ aside, below }),
    unit: 'rad',
    note: 'With less the push flattens the ski, with more it tips it. Height brings it down, a wide waist up.',
    source: LEVER,
  });
}

/** The same where the solved pressure has its centre; null where the groove is not solved. */
export function solvedFreeAngulationWorking(question: BootOnEdge): Working | null {
  const { centre } = question;
  const solved = solvedOf(question);
  if (centre === null || solved === null) return null;
  const names = ['boot.solvedFreeAngulation', 'The same, where the snow presses', '\\gamma_0'] as const;
  return told([...names, 'atan2(y_p, H - z_p)'], {
    inputs: [
      input(
        'y_p',
        'y_p',
        solved.aside,
        'm',
        "the pressure's centre from the ski's midline",
        'carve.turnRadius',
      ),
      input('H', 'H', footBedOf(question), 'm', 'height of the foot bed over the snow', 'boot.footBed'),
      input('z_p', 'z_p', centre.rise, 'm', "the pressure's centre over the base under the boot"),
    ],
    value: freeAngulation(solved),
    unit: 'rad',
    source: LEVER,
  });
}

/** Edge angle that boot and leg give away under the moment, or take on where it tips the ski. */
export function edgeAngleLostWorking(question: BootQuestion): Working {
  const { moment, solvedMoment, edgeAngleLost: value } = bootAnswer(question);
  const names = ['boot.edgeAngleLost', 'Edge angle lost in the boot', '\\Delta\\theta'] as const;
  return told([...names, 'M / k'], {
    inputs: [
      input(
        'M',
        'M',
        solvedMoment ?? moment,
        'N*m',
        'moment on the boot',
        solvedMoment === null ? 'boot.moment' : 'boot.solvedMoment',
      ),
      input('k', 'k', question.stiffness, 'N*m/rad', 'lateral stiffness of boot and leg, an input'),
    ],
    value,
    unit: 'rad',
    note:
      'The leg is tipped this much more than the ski; where negative, less. The usual stiffness, 20 N·m a degree, is an ' +
      'order of magnitude from memory: confirm it for your boot.',
    source: 'A spring between leg and ski',
    status: 'from memory',
  });
}

const pushInput = (q: BootQuestion) => input('F', 'F', pushIn(q), 'N', "the snow's push", 'boot.push');
const gammaInput = (q: BootQuestion) =>
  input('gamma', '\\gamma', angulationIn(q), 'rad', 'angulation', 'boot.angulation');
