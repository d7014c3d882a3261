/** What a strip needs that scrolls within itself: keyboard reach, and a name once it has that. */
export const scrollable = (name: string) =>
  ({ role: 'region', 'aria-label': name, tabIndex: 0 }) as const;
