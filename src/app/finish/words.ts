/** What the fields of a finish are called on screen, and figures as builders say them. */
import type { Chemistry, Effect } from '../../finish/finish.ts';

export const painted: readonly { value: Effect; name: string }[] = [
  { value: 'solid', name: 'Solid' },
  { value: 'metallic', name: 'Metallic' },
  { value: 'pearl', name: 'Pearl' },
  { value: 'candy', name: 'Candy' },
  { value: 'clear', name: 'Clear or tint' },
];
export const unpainted: readonly { value: Effect; name: string }[] = [
  { value: 'ribbon', name: 'Ribbon' },
  { value: 'flock', name: 'Flock' },
  { value: 'leather', name: 'Leather' },
  { value: 'rubber', name: 'Rubber' },
  { value: 'foil', name: 'Foil' },
  { value: 'bare-metal', name: 'Bare metal' },
  { value: 'lens', name: 'Lens' },
];

/** What the recorded colour means for this sort of finish. */
export const colourMeaning = (effect: Effect): string => {
  switch (effect) {
    case 'metallic':
    case 'pearl':
      return 'As it looks at 45° from the glare: neither its brightest nor its darkest.';
    case 'candy':
    case 'clear':
      return 'White seen through all its coats; what lies beneath goes under films.';
    default:
      return 'As it looks once dry.';
  }
};

export const chemistryNames: Readonly<Record<Chemistry, string>> = {
  lacquer: 'Acrylic lacquer',
  acrylic: 'Water-based acrylic',
  enamel: 'Enamel',
  urethane: 'Two-part urethane',
  none: 'Not said',
};

/** `10 min – 2 h`, `24–48 h`, `7–14 days`. */
export function spanOf([low, high]: readonly [number, number], unit: 'min' | 'h' | 'days'): string {
  const asHours = unit === 'min' && high >= 60;
  if (!asHours) return `${low}–${high}\u00a0${unit}`;
  const hours = (minutes: number): string =>
    minutes < 60 ? `${minutes}\u00a0min` : `${Number((minutes / 60).toFixed(1))}\u00a0h`;
  return `${hours(low)} – ${hours(high)}`;
}

/** `one other`, `6 others`. */
export const othersOf = (count: number): string => (count === 1 ? 'one other' : `${count} others`);

/** What an uncertainty means to the eye, our judgement; ΔE2000. */
export function meaningOf(deltaE: number): string {
  const within = `The real paint is likely to lie within about ΔE ${Number(deltaE.toFixed(1))} of it`;
  if (deltaE <= 1.5) return `${within}: hardly to be told apart side by side.`;
  if (deltaE <= 3) return `${within}: seen side by side, not from memory.`;
  if (deltaE <= 6) return `${within}: a neighbouring shade, plain to see side by side.`;
  return `${within}: it may well be another colour. Spray a spoon before you rely on it.`;
}
