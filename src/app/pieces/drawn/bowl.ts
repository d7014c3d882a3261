/**
 * The outlines of a test spoon, drawn as the back of a plastic teaspoon lying on the bench, lamp
 * above and to the left. SVG path data in a box 104 × 48, of which 8 are 7 CSS pixels; our own
 * drawing.
 */

export const bowl =
  'M2.5 24C2.5 12.4 14 5 29.5 5C45 5 60.5 13.2 60.5 24C60.5 34.8 45 43 29.5 43C14 43 2.5 35.6 2.5 24Z';
/** Ends at the right edge, on whole pixels, where the handle takes over. */
export const neck =
  'M52 17C60 18.8 66 19.6 72 17.8C80 15.2 84 2.29 104 2.29V45.71C84 45.71 80 32.8 72 30.2C66 28.4 60 29.2 52 31Z';
export const ridge = 'M61 23C70 21.8 81 21.5 96 21.1';
export const lamp =
  'M10 21.5C11.5 13.8 19 9.3 29.5 9.4C36 9.5 42.5 11.3 46.5 14C39 12.9 29 13.4 22.5 16.4C17.5 18.7 14.5 21 10 21.5Z';
export const bounce = 'M13 33.5C22 39.8 39 40.6 51.5 33C43.5 41.6 23 42.8 13 33.5Z';
