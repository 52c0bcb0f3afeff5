/** The words of numbers that belong to a page alone. */
export const enSettings = {
  number: (label: string, value: string, low: string, high: string) =>
    `${label}: ${value}. It can be set here, from ${low} to ${high}.`,
};
