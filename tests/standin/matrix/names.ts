export const SERVER = 'bees.test';
export const BOT = `@bee:${SERVER}`;
export const PASSWORD = 'a password of the stand-in';

let names = 0;
/** A number that was not given before. */
export const another = (): number => ++names;
