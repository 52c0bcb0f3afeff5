/** The words of the presenting view and of a teacher's fold. */
export const enPresent = {
  present: "present this page",
  next: "next",
  back: "back",
  count: (at: number, of: number) => `${at} of ${of}`,
  hint: "Space or → goes on, ← goes back. M shows the machine, F fills the screen, Esc ends.",
};
