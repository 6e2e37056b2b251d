/** Today where the user is: "2026-03-14". */
export function localDay(at: Date = new Date()): string {
  const [month, day] = [at.getMonth() + 1, at.getDate()].map((part) => String(part).padStart(2, '0'));
  return `${at.getFullYear()}-${month}-${day}`;
}
