export const solid = {} as const;
