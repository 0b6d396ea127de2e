import type { Accepted, AcceptedRange, FieldFault } from '../fault/index.ts';
import type { Sentence, Value } from './sentence.ts';

/** A field at fault as a sentence: where it stands, which it is, what was found and what is accepted. */
export function faultSentence({ field, found, accepted, where, because }: FieldFault): Sentence {
  const name = { field };
  const fault: Sentence = because
    ? { key: 'fault.because', values: { field: name, because } }
    : found === undefined
      ? { key: 'fault.missing', values: { field: name, accepted: acceptedSentence(accepted) } }
      : { key: 'fault.notAccepted', values: { field: name, found, accepted: acceptedSentence(accepted) } };
  if (where?.line !== undefined) return { key: 'fault.line', values: { line: where.line, fault } };
  if (where?.row !== undefined) return { key: 'fault.row', values: { row: where.row, fault } };
  return fault;
}

/** The first of several faults, and how many more there are. */
export function faultsSentence([first, ...others]: readonly [FieldFault, ...FieldFault[]]): Sentence {
  const fault = faultSentence(first);
  return others.length === 0 ? fault : { key: 'fault.more', values: { fault, more: others.length } };
}

/** What a field takes, as a sentence. */
export function acceptedSentence(accepted: Accepted): Sentence {
  if ('key' in accepted) return accepted;
  if ('oneOf' in accepted) return { key: 'accepted.oneOf', values: { words: { anyOf: accepted.oneOf } } };
  return rangeSentence(accepted);
}

function rangeSentence(range: AcceptedRange): Sentence {
  const { from, above, below, whole, unit, quantity } = range;
  const to = range.to === Infinity ? undefined : range.to;
  const last = (value: number): Value =>
    quantity !== undefined ? { quantity, value } : unit ? `${value} ${unit}` : value;
  const first = (value: number): Value => (quantity !== undefined ? { quantity, value, bare: true } : value);
  if (from !== undefined && to !== undefined) {
    const values = { from: first(from), to: last(to) };
    return whole ? { key: 'accepted.wholeRange', values } : { key: 'accepted.range', values };
  }
  if (above !== undefined && to !== undefined) {
    return { key: 'accepted.aboveTo', values: { above: first(above), to: last(to) } };
  }
  if (from !== undefined && below !== undefined) {
    return { key: 'accepted.fromBelow', values: { from: first(from), below: last(below) } };
  }
  if (above !== undefined && below !== undefined) {
    return { key: 'accepted.between', values: { above: first(above), below: last(below) } };
  }
  if (from !== undefined) {
    return whole
      ? { key: 'accepted.wholeFrom', values: { from: last(from) } }
      : { key: 'accepted.from', values: { from: last(from) } };
  }
  if (to !== undefined) return { key: 'accepted.to', values: { to: last(to) } };
  if (above !== undefined) return { key: 'accepted.above', values: { above: last(above) } };
  if (below !== undefined) return { key: 'accepted.below', values: { below: last(below) } };
  return whole ? { key: 'accepted.wholeNumber' } : { key: 'accepted.number' };
}
