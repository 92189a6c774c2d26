/** Line and letters. */
export const INK = '#1B2233';
