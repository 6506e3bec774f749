/** Values against limits: what stands at a limit is within it, whatever the last digit of a converted size says. */
const SLACK = 1e-7;

export const over = (value: number, limit: number): boolean => value > limit * (1 + SLACK);
export const under = (value: number, limit: number): boolean => value < limit * (1 - SLACK);
