import { input, type Working, workingOf } from '../working/index.ts';
import {
  BINDING_CAUTION,
  type BootOnSki,
  bindingLoads,
  pushPoint,
  type TurnReadings,
} from './binding-loads.ts';

const SOURCE = { key: 'source.pushInSkiAxes' } as const;

/** How each load handed to the binding comes about at one moment of a turn: forces, then moments. */
export function bindingLoadWorkings(turn: TurnReadings, boot: BootOnSki): Working[] {
  const { load, lean, edgeAngle } = turn;
  const loads = bindingLoads(turn, boot);
  const { x, y, z } = pushPoint(edgeAngle, boot);
  const F = input('F', 'F', 'boot.pushOnThisSki', load, 'N');
  const tipped = [
    input('theta', '\\theta', 'boot.edgeAngle', edgeAngle, 'rad'),
    input('psi', '\\psi', 'boot.pushLean', lean, 'rad'),
  ];
  const normal = input('F_z', 'F_z', 'boot.normalForce', loads.normal, 'N', 'boot.normalForce');
  const sideways = input('F_y', 'F_y', 'boot.sidewaysForce', loads.sideways, 'N', 'boot.sidewaysForce');
  const along = input('F_x', 'F_x', 'boot.foreAftForce', loads.foreAft, 'N', 'boot.foreAftForce');
  const ahead = input('x', 'x', 'boot.pushAhead', x, 'm');
  const aside = input('y', 'y', 'boot.pushAside', y, 'm');
  const above = input('z', 'z', 'boot.pushAbove', z, 'm');
  const common = { note: BINDING_CAUTION, source: SOURCE };
  return [
    workingOf(['boot.normalForce', 'boot.title.normalForce', 'F_z', 'F * cos(theta - psi)'], {
      inputs: [F, ...tipped],
      value: loads.normal,
      unit: 'N',
      ...common,
    }),
    workingOf(['boot.sidewaysForce', 'boot.title.sidewaysForce', 'F_y', '-F * sin(theta - psi)'], {
      inputs: [F, ...tipped],
      value: loads.sideways,
      unit: 'N',
      ...common,
    }),
    workingOf(['boot.foreAftForce', 'boot.title.foreAftForce', 'F_x', '-mu * F'], {
      inputs: [F, input('mu', '\\mu', 'boot.friction', boot.friction ?? 0, '1')],
      value: loads.foreAft,
      unit: 'N',
      ...common,
    }),
    workingOf(['boot.rollMoment', 'boot.title.rollMoment', 'M_x', 'y * F_z - z * F_y'], {
      inputs: [aside, normal, above, sideways],
      value: loads.roll,
      unit: 'N*m',
      ...common,
    }),
    workingOf(['boot.pitchMoment', 'boot.title.pitchMoment', 'M_y', 'x * F_z - z * F_x'], {
      inputs: [ahead, normal, above, along],
      value: loads.pitch,
      unit: 'N*m',
      ...common,
    }),
    workingOf(['boot.yawMoment', 'boot.title.yawMoment', 'M_z', 'x * F_y - y * F_x'], {
      inputs: [ahead, sideways, aside, along],
      value: loads.yaw,
      unit: 'N*m',
      ...common,
    }),
  ];
}
