/** Id of the element that shows an alternative's car, so that others can bring it into sight. */
export const carElementId = (alternative: string): string => `car-${alternative}`;
