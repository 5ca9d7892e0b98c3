export const path: string;
export function make(): string;
