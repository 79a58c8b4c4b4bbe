/** Money is added up in whole cents, line by line, so that sums never depend on their order. */
export const cents = (amount: number): number => Math.round(amount * 100);
