/** A temperature at which water is neither ice nor steam, °C: what a plan asks beyond that counts as the end of it. */
export const asLiquidC = (temperatureC: number): number => Math.min(100, Math.max(0, temperatureC));
