/**
 * Stands for a value that somebody still has to find out. It is a word, and no property takes it: the line stays an
 * error until a real value is written, so that a forgotten one cannot pass.
 */
export const placeholder = "TODO";
