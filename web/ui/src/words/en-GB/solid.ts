// The papered room in three dimensions.

export const solid = {
  "solid.open": "See the room",
  "solid.title": "The papered room",
  "solid.coming": "Setting up the room …",
  "solid.away": "This part has not been fetched yet, and there is no network.",
  "solid.refused": "This device cannot draw in three dimensions. The walls in words stand below.",
  "solid.picture": "The papered room, to be turned and walked in",
  "solid.help": "Arrow keys turn the room; inside it they turn you, and walk forward and back. Plus and minus come closer and step back. Page keys look up and down.",
  "solid.above": "From above",
  "solid.door": "From the door",
  "solid.seams": "Mark the seams",
  "solid.left": "Turn left",
  "solid.right": "Turn right",
  "solid.closer": "Closer",
  "solid.further": "Further off",
  "solid.words": "The room in words",
  "solid.wall": "Drops {drops}.",
} as const;
