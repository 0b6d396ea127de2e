import { USUAL } from '../conditions/index.ts';
import { DEFAULTS } from '../pair/index.ts';
import { input, type Working, workingOf } from '../working/index.ts';
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

export { bindingLoadWorkings } from './binding-working.ts';

const USUAL_HEIGHTS = {
  standing: { quantity: 'lengthMm', value: DEFAULTS.standingHeightMm, bare: true },
  sole: { quantity: 'lengthMm', value: DEFAULTS.bootSoleHeightMm },
} as const;

const LEVER = { key: 'source.lever' } as const;

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
  return workingOf(['boot.angulation', 'run.title.angulation', '\\gamma', 'theta - psi'], {
    inputs: [
      input('theta', '\\theta', 'working.edgeAngle', edgeAngle, 'rad'),
      input('psi', '\\psi', 'boot.leanOfPush', lean, 'rad', 'run.lean'),
    ],
    value: angulationIn(question),
    unit: 'rad',
    source: { key: 'source.directions' },
    status: 'definition',
  });
}

/** The push of the snow, from the part of it that presses along the base's normal. */
export function pushWorking(question: BootQuestion): Working {
  return workingOf(['boot.push', 'boot.title.push', 'F', 'N / cos(gamma)'], {
    inputs: [input('N', 'N', 'working.loadOnSki', question.normal, 'N'), gammaInput(question)],
    value: pushIn(question),
    unit: 'N',
    note: { key: 'boot.note.push' },
    source: { key: 'source.resolution' },
  });
}

/** Height of the foot bed over the snow. */
export function footBedWorking(question: BootOnEdge): Working {
  const { standingHeight, bootSoleHeight, heightsStated } = question;
  return workingOf(['boot.footBed', 'boot.title.footBed', 'H', 'h_s + h_b'], {
    inputs: [
      input('h_s', 'h_s', 'boot.standingHeight', standingHeight, 'm', 'standingHeightMm'),
      input('h_b', 'h_b', 'boot.soleHeight', bootSoleHeight, 'm', 'bootSoleHeightMm'),
    ],
    value: footBedOf(question),
    unit: 'm',
    note: heightsStated ? undefined : { key: 'boot.note.assumedHeights', values: USUAL_HEIGHTS },
    source: { key: 'source.heights' },
    status: 'definition',
  });
}

/** Moment the boot must carry, with the push at the waist's edge under the boot centre. */
export function bootMomentWorking(question: BootQuestion): Working {
  const { aside, below } = waistOf(question);
  const names = ['boot.moment', 'boot.title.moment', 'M'] as const;
  return workingOf([...names, 'F * (y_w * cos(gamma) - H * sin(gamma))'], {
    inputs: [
      pushInput(question),
      input('y_w', 'y_w', 'working.halfWaist', aside, 'm', 'waistWidthMm'),
      gammaInput(question),
      input('H', 'H', 'working.footBed', below, 'm', 'boot.footBed'),
    ],
    value: bootAnswer(question).moment,
    unit: 'N*m',
    note: { key: 'boot.note.sign' },
    source: LEVER,
  });
}

/** The same with the push where the solved pressure has its centre; null where the groove is not solved. */
export function solvedBootMomentWorking(question: BootQuestion): Working | null {
  const { centre } = question;
  const value = bootAnswer(question).solvedMoment;
  if (centre === null || value === null) return null;
  const names = ['boot.solvedMoment', 'boot.title.solvedMoment', 'M'] as const;
  return workingOf([...names, 'F * (y_p * cos(gamma) - (H - z_p) * sin(gamma))'], {
    inputs: [
      pushInput(question),
      input('y_p', 'y_p', 'boot.centreAside', centre.aside, 'm', 'carve.turnRadius'),
      gammaInput(question),
      input('H', 'H', 'working.footBed', footBedOf(question), 'm', 'boot.footBed'),
      input('z_p', 'z_p', 'boot.centreRise', centre.rise, 'm', 'carve.turnRadius'),
    ],
    value,
    unit: 'N*m',
    note: { key: 'boot.note.solvedMoment' },
    source: LEVER,
  });
}

/** Angulation at which the push passes through the foot. */
export function freeAngulationWorking(question: BootOnEdge): Working {
  const { aside, below } = waistOf(question);
  const names = ['boot.freeAngulation', 'boot.title.freeAngulation', '\\gamma_0'] as const;
  return workingOf([...names, 'atan2(y_w, H)'], {
    inputs: [
      input('y_w', 'y_w', 'working.halfWaist', aside, 'm', 'waistWidthMm'),
      input('H', 'H', 'working.footBed', below, 'm', 'boot.footBed'),
    ],
    value: freeAngulation({ aside, below }),
    unit: 'rad',
    note: { key: 'boot.note.freeAngulation' },
    source: LEVER,
  });
}

/** The same where the solved pressure has its centre; null where the groove is not solved. */
export function solvedFreeAngulationWorking(question: BootOnEdge): Working | null {
  const { centre } = question;
  const solved = solvedOf(question);
  if (centre === null || solved === null) return null;
  const names = ['boot.solvedFreeAngulation', 'boot.title.solvedFreeAngulation', '\\gamma_0'] as const;
  return workingOf([...names, 'atan2(y_p, H - z_p)'], {
    inputs: [
      input('y_p', 'y_p', 'boot.centreAside', solved.aside, 'm', 'carve.turnRadius'),
      input('H', 'H', 'working.footBed', footBedOf(question), 'm', 'boot.footBed'),
      input('z_p', 'z_p', 'boot.centreRise', centre.rise, 'm'),
    ],
    value: freeAngulation(solved),
    unit: 'rad',
    source: LEVER,
  });
}

/** Edge angle that boot and leg give away under the moment, or take on where it tips the ski. */
export function edgeAngleLostWorking(question: BootQuestion): Working {
  const { moment, solvedMoment, edgeAngleLost: value } = bootAnswer(question);
  const names = ['boot.edgeAngleLost', 'boot.title.edgeAngleLost', '\\Delta\\theta'] as const;
  return workingOf([...names, 'M / k'], {
    inputs: [
      input(
        'M',
        'M',
        'boot.moment',
        solvedMoment ?? moment,
        'N*m',
        solvedMoment === null ? 'boot.moment' : 'boot.solvedMoment',
      ),
      input('k', 'k', 'boot.stiffness', question.stiffness, 'N*m/rad'),
    ],
    value,
    unit: 'rad',
    note: {
      key: 'boot.note.edgeAngleLost',
      values: {
        stiffness: { quantity: 'bootStiffnessNmPerDeg', value: USUAL.bootStiffnessNmPerDeg },
      },
    },
    source: { key: 'source.bootSpring' },
    status: 'from memory',
  });
}

const pushInput = (q: BootQuestion) => input('F', 'F', 'working.pushOnSki', pushIn(q), 'N', 'boot.push');
const gammaInput = (q: BootQuestion) =>
  input('gamma', '\\gamma', 'working.angulation', angulationIn(q), 'rad', 'boot.angulation');
