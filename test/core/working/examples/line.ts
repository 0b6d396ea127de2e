import { rhythm, rhythmWorkings } from '../../../../core/line/index.ts';
import { slalom } from '../../line/questions.ts';

export const examples = {
  rhythmWorkings: () => {
    const answer = rhythm(slalom(), { stages: 24, beginnings: 1 });
    if (!answer.ok) throw new Error(answer.limit);
    return rhythmWorkings(answer);
  },
};
