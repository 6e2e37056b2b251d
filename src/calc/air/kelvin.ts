/** 0 °C, K, by definition. */
export const zeroCelsiusK = 273.15;

/** °C to K. */
export const kelvin = (temperatureC: number): number => temperatureC + zeroCelsiusK;
