/**
 * Every sentence and label a person reads, in English, in ICU MessageFormat. A key names the room that speaks and what
 * it says. Selectors of a plural stand close to their brace: `{n, plural, one{# pair} other{# pairs}}`.
 */
export const english = {
  // A field that cannot be used.
  'fault.because': '{field}: {because}',
  'fault.notAccepted': '{field}: {found} is not accepted; accepted is {accepted}',
  'fault.missing': '{field}: is missing; accepted is {accepted}',
  'fault.line': 'line {line}, {fault}',
  'fault.row': 'row {row}, {fault}',
  'fault.more': '{fault} (and {more} more)',
  'accepted.range': '{from} to {to}',
  'accepted.wholeRange': 'a whole number from {from} to {to}',
  'accepted.from': '{from} or more',
  'accepted.wholeFrom': 'a whole number from {from}',
  'accepted.to': 'up to {to}',
  'accepted.above': 'above {above}',
  'accepted.below': 'below {below}',
  'accepted.aboveTo': 'above {above} and up to {to}',
  'accepted.fromBelow': '{from} to below {below}',
  'accepted.between': 'above {above} and below {below}',
  'accepted.number': 'a number',
  'accepted.wholeNumber': 'a whole number',
  'accepted.oneOf': '{words}',

  // Fields, as a form calls them.
  'field.contactLengthMm': 'Contact length',
  'field.waistWidthMm': 'Waist',
  'field.baseBevelDeg': 'Base bevel',
} as const;
