export { ringAround } from './area-text.ts';
export { cellText, cellValue, unitOf } from './cell-text.ts';
export { type Checked, checkCell } from './check-cell.ts';
export { type Column, fieldWith, valueIn } from './column.ts';
export { columns, type LedgerTable } from './columns.ts';
