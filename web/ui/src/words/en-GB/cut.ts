export const cut = {} as const;
