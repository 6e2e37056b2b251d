/** Slack for sums of millimetres written in metres. */
const roundingMm = 1e-6;

/** To the nearest millimetre, for estimates, of which less means nothing. */
export const nearestMillimetre = (lengthM: number): number => Math.round(lengthM * 1000) / 1000;

/** Rounded up to a whole millimetre, so that doing what a remedy says is enough. */
export const upToMillimetre = (lengthM: number): number => Math.ceil(lengthM * 1000 - roundingMm) / 1000;

/** Rounded down to a whole millimetre, for what must not be more. */
export const downToMillimetre = (lengthM: number): number => Math.floor(lengthM * 1000 + roundingMm) / 1000;

/** Without the last digits of a sum, so that lengths that are the same are printed the same. */
export const nearestMicrometre = (lengthM: number): number => Math.round(lengthM * 1e6) / 1e6;
