/** The same day so many months later, YYYY-MM-DD; the month's last day where it has no such day. */
export function monthsLater(day: string, months: number): string {
  const [year, month, date] = day.split('-').map(Number) as [number, number, number];
  const count = year * 12 + (month - 1) + months;
  const [y, m] = [Math.floor(count / 12), (count % 12) + 1];
  const last = new Date(Date.UTC(y, m, 0)).getUTCDate();
  const pad = (value: number, digits: number): string => String(value).padStart(digits, '0');
  return `${pad(y, 4)}-${pad(m, 2)}-${pad(Math.min(date, last), 2)}`;
}
