/**
 * What is each score called? One name for page, terminal and files' readers, worded so that a high
 * number reads as good.
 */
import type { ScoreKey } from './evidence.ts';

export const scoreNames: Readonly<Record<ScoreKey, string>> = {
  contrast: 'Contrast',
  accent: 'Accent balance',
  sheen: 'Sheen pairing',
  harmony: 'Kept apart',
  steadiness: 'Steadiness',
  readiness: 'Readiness',
};
