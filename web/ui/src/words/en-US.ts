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
  "plan.drop": "Strip {number}",
  "plan.corner.rule.hint": "A new strip begins plumb on the next wall. Carried on, the strip is cut and its remainder turns the corner.",
  "plan.corner.new": "New strip",
  "plan.plumb.how": "Draw it with plumb bob or level before the strip is hung.",
  "plan.start.edge.hint": "To the left edge of the first strip. Negative: it turns the corner before.",
  "plan.offer.drop": "Strip on the middle: {what}",
  "plan.kill.lap": "Which strip turns the corner",
  "plan.kill.lap.hint": "The strip on that side of the corner is hung first and turns it by the overlap.",
  "plan.edit.corner.carry": "Strip carried on at corner {name}",
  "plan.edit.corner.new_drop": "New strip at corner {name}",
  "key.centre": "center line",
  "key.of": "what is centered",
  "key.reversing": "alternate strips reversed",
  "key.new_drop": "new strip begins in",
  "key.edge": "edge of the strip",
  "key.lap": "whose strip laps",
};
