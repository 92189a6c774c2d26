/** Short enough to read out, different enough to find in the log. */
export function referenceOf(now: Date): string {
  const tail = Math.floor(Math.random() * 36 ** 3)
    .toString(36)
    .padStart(3, '0');
  return `${(now.getTime() % 36 ** 5).toString(36).padStart(5, '0')}-${tail}`;
}
