import type { Working } from '../working/index.ts';
import {
  BINDING_CAUTION,
  type BootOnSki,
  bindingLoads,
  pushPoint,
  type TurnReadings,
} from './binding-loads.ts';
import { input, told } from './told.ts';

const SOURCE = "Force and moment of the snow's push, in the ski's own axes at the boot centre";

/** How each load handed to the binding comes about at one moment of a turn: forces, then moments. */
export function bindingLoadWorkings(turn: TurnReadings, boot: BootOnSki): Working[] {
  const { load, lean, edgeAngle } = turn;
  const loads = bindingLoads(turn, boot);
  const { x, y, z } = pushPoint(edgeAngle, boot);
  const F = input('F', 'F', load, 'N', "the snow's push on this ski");
  const tipped = [
    input('theta', '\\theta', edgeAngle, 'rad', 'edge angle, right is positive'),
    input('psi', '\\psi', lean, 'rad', 'lean of the push, right is positive'),
  ];
  const normal = input('F_z', 'F_z', loads.normal, 'N', 'force along the base normal', 'boot.normalForce');
  const sideways = input('F_y', 'F_y', loads.sideways, 'N', 'force along the base', 'boot.sidewaysForce');
  const along = input('F_x', 'F_x', loads.foreAft, 'N', 'force along the ski', 'boot.foreAftForce');
  const ahead = input('x', 'x', x, 'm', 'where the push acts, ahead of the boot centre');
  const aside = input('y', 'y', y, 'm', 'where the push acts, right of the midline');
  const above = input('z', 'z', z, 'm', 'where the push acts, over the point the moment is about');
  const common = { note: BINDING_CAUTION, source: SOURCE };
  return [
    told(['boot.normalForce', 'Force off the base', 'F_z', 'F * cos(theta - psi)'], {
      inputs: [F, ...tipped],
      value: loads.normal,
      unit: 'N',
      ...common,
    }),
    told(['boot.sidewaysForce', 'Force along the base', 'F_y', '-F * sin(theta - psi)'], {
      inputs: [F, ...tipped],
      value: loads.sideways,
      unit: 'N',
      ...common,
    }),
    told(['boot.foreAftForce', 'Force along the ski', 'F_x', '-mu * F'], {
      inputs: [F, input('mu', '\\mu', boot.friction ?? 0, '1', 'friction, with what the edge scrapes off')],
      value: loads.foreAft,
      unit: 'N',
      ...common,
    }),
    told(['boot.rollMoment', "Moment about the ski's long axis", 'M_x', 'y * F_z - z * F_y'], {
      inputs: [aside, normal, above, sideways],
      value: loads.roll,
      unit: 'N*m',
      ...common,
    }),
    told(['boot.pitchMoment', 'Moment that lifts the toe', 'M_y', 'x * F_z - z * F_x'], {
      inputs: [ahead, normal, above, along],
      value: loads.pitch,
      unit: 'N*m',
      ...common,
    }),
    told(['boot.yawMoment', 'Moment that turns the toe', 'M_z', 'x * F_y - y * F_x'], {
      inputs: [ahead, sideways, aside, along],
      value: loads.yaw,
      unit: 'N*m',
      ...common,
    }),
  ];
}
