/** Rows as CSV (RFC 4180): quoted where a comma, quote or line end needs it. */
export function toCsv(rows: readonly (readonly (string | number)[])[]): string {
  const cell = (value: string | number) => {
    const text = String(value);
    return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
  };
  return `${rows.map(row => row.map(cell).join(',')).join('\r\n')}\r\n`;
}
