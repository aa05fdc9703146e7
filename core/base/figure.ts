/** A number to so many decimals; what rounds to none has no sign. */
export function figure(value: number, decimals: number): string {
  const written = value.toFixed(decimals);
  return Number(written) === 0 ? (0).toFixed(decimals) : written;
}
