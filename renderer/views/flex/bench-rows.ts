import { bendingCompliance, type Profile } from '../../../core/flex/index.ts';
import { MM } from '../../../core/units/index.ts';

/** Load stands, as shares of the contact length, of the made-up readings. */
const STANDS = [0.2, 0.35, 0.5, 0.65, 0.8];

/** What a ski of this profile would read on the bench under 100 N, dial under the load, to 0.01 mm. */
export function exampleRows(profile: Profile, contactLength: number): string {
  const lines = ['loadFromTailMm,loadN,dialFromTailMm,deflectionMm'];
  for (const share of STANDS) {
    const atMm = Math.round((share * contactLength) / MM);
    const deflection = 100 * bendingCompliance(profile, 0, contactLength, atMm * MM);
    lines.push(`${atMm},100,${atMm},${(deflection / MM).toFixed(2)}`);
  }
  return `${lines.join('\n')}\n`;
}
