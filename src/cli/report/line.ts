/** A row of a report: its label, then its value in a column. */
export const line = (label: string, value: string): string => `${label.padEnd(22)} ${value}`;

/** "1 reset", "2 resets". */
export const counted = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? '' : 's'}`;
