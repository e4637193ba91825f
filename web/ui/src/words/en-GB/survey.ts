export const survey = {} as const;
