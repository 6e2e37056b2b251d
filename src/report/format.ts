/** The ways a report may be written. */
export const formats = ['table', 'json', 'sarif', 'junit', 'markdown'] as const;
export type Format = (typeof formats)[number];
