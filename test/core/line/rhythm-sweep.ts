/**
 * Every demo pair in its own groove through the whole grid of rhythms: what is solved, what is refused and by which
 * limit. A quarter of an hour; `npx tsx test/core/line/rhythm-sweep.ts`, with a hardness in N/mm³ behind it if wanted.
 */
import { usualWallStrength } from '../../../core/carve/index.ts';
import { rhythm } from '../../../core/line/index.ts';
import { demoSkis, grooveSurface } from './demo-grooves.ts';
import { conditionsOf, SLALOM } from './questions.ts';

const hardness = Number(process.argv[2] ?? 1) * 1e9;
/** Offsets beyond this share of the spacing leave no way down. */
const WIDEST = 0.63;

let solved = 0;
let request = 0;
for (const ski of demoSkis) {
  const surface = grooveSurface(ski, hardness);
  for (const spacing of [8, 12, 18, 24, 30]) {
    for (const offset of [1.5, 4, 6.5, 9].filter(each => each <= WIDEST * spacing)) {
      for (const slopeDeg of [5, 12, 30]) {
        const conditions = {
          ...conditionsOf({ ...SLALOM, slopeDeg }),
          ski: surface,
          contactLength: ski.contactLength,
          baseBevel: ski.baseBevel,
          wallStrength: usualWallStrength(hardness),
        };
        const answer = rhythm({ conditions, spacing, offset }, { stages: 32 });
        request++;
        if (answer.ok) solved++;
        else console.log(`${ski.name}: ${spacing} m by ${offset} m on ${slopeDeg}°: ${answer.limit}`);
      }
    }
  }
  console.log(`${ski.name}: ${solved} of ${request} solved so far`);
}
