import type { enGB } from "./en-GB";
import type { Message } from "./text";

/** What American English says differently. */
export const enUS: Partial<Record<keyof typeof enGB, Message>> = {
  "jobs.lead": "Measure a room, say what the label says, and see where every strip stands before a roll is opened.",
  "band.help": "Arrow keys look along the walls, plus and minus come closer and step back, 0 shows everything. Tab reaches walls, openings, strips and marks.",
  "settings.units.metric": "Meters and millimeters",
  "bin.title": "Trash",
  "bin.lead": "Jobs stay here until you empty the trash.",
  "bin.empty": "The trash is empty.",
  "jobs.bin": "Put into the trash",
  "jobs.binned": "{name} is in the trash.",
  "menu.bin": "Trash",
};
