import type { Defect } from '../engine/run.ts';

/** What to say of a check that stopped, since storystick itself is at fault. */
export const defectText = ({ rule, message }: Defect): string =>
  `storystick has a defect: the check ${rule} stopped (${message}). All other checks ran. Please report it.\n`;
