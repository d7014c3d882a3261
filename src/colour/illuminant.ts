/** The five lights the product computes with: CIE D65, A, LED-B3, D50 and FL11. [CIE015] */
export const lightIds = ['D65', 'A', 'LED-B3', 'D50', 'FL11'] as const;
export type LightId = (typeof lightIds)[number];
