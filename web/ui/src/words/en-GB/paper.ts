export const paper = {} as const;
