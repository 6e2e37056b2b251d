import type { Citation } from '../citation.ts';
import { monoxideAlarmTimes, monoxideGuidelines, monoxideGuidelines2010 } from './sources.ts';

/** When an alarm sounds, by the share of carbon monoxide in the air (1e-6 is 1 ppm). */
export interface AlarmTime {
  readonly share: number;
  /** Not sooner than, s. */
  readonly notBeforeS?: number;
  /** Not later than, s. */
  readonly withinS?: number;
}

/** Below 30 ppm an alarm need never sound: it guards against acute poisoning only. */
export const alarmTimes: readonly AlarmTime[] = [
  { share: 30e-6, notBeforeS: 7200 },
  { share: 50e-6, notBeforeS: 3600, withinS: 5400 },
  { share: 100e-6, notBeforeS: 600, withinS: 2400 },
  { share: 300e-6, withinS: 180 },
];
export const alarmTimeCitations: readonly Citation[] = [monoxideAlarmTimes];

/** Most that people should breathe on average over a time. */
export interface MonoxideGuideline {
  readonly overS: number;
  readonly kgPerM3: number;
  /** As printed beside it; undefined where only the mass was. */
  readonly share?: number;
  readonly citations: readonly Citation[];
}

const older: readonly Citation[] = [monoxideGuidelines];
const newer: readonly Citation[] = [monoxideGuidelines2010];
export const monoxideGuidelineRows: readonly MonoxideGuideline[] = [
  { overS: 900, kgPerM3: 100e-6, share: 90e-6, citations: older },
  { overS: 1800, kgPerM3: 60e-6, share: 50e-6, citations: older },
  { overS: 3600, kgPerM3: 30e-6, share: 25e-6, citations: older },
  { overS: 28_800, kgPerM3: 10e-6, share: 10e-6, citations: older },
  { overS: 900, kgPerM3: 100e-6, citations: newer },
  { overS: 3600, kgPerM3: 35e-6, citations: newer },
  { overS: 28_800, kgPerM3: 10e-6, citations: newer },
  { overS: 86_400, kgPerM3: 7e-6, citations: newer },
];

/** The mass of carbon monoxide in a cubic metre at one part in one, kg/m³: 1 ppm is 1.145 mg/m³. */
export const monoxideKgM3 = 1.145;
