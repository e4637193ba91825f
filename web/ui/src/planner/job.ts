// Written by web/wasm/types from job/schema.json. Do not edit: run make types.

/**
 * A room as measured, the papers as labelled, what goes where, and the rules of whoever
 * hangs. Heights count upwards from the datum, a level line round the room; positions on a
 * wall count from its left end as one faces it from inside the room.
 */
export interface Job {
  /** Version of the format. */
  firstdrop: 1;
  /** What the job is called. */
  name?: Name;
  /** Anything worth keeping; not used for planning. */
  note?: string | number;
  /**
   * Unit of numbers that are written without one. Without it, every number needs its own. With
   * in, ft or yd, lengths are cut to 1/16 in instead of 1 mm.
   */
  units?: "mm" | "cm" | "m" | "in" | "ft" | "yd";
  room: Room;
  /** The papers, as their labels describe them. */
  papers: Paper[];
  /** What goes where. Without it, the only paper goes on all walls. */
  hang?: Hang[];
  rules?: Rules;
  cutting?: Cutting;
  weights?: Weights;
}

/**
 * A length: 2502, 2502 mm, 250.2 cm, 2.502 m, 8' 2 1/2", 98.5 in. A bare number takes the
 * job's units.
 */
export type Length = string | number;

/** An angle in degrees: 90, 90°, 89.5 deg, 89°30'. */
export type Angle = string | number;

/** A name on one line, without the sign |. */
export type Name = string | number;

/** A place on a wall: [across, height]. */
export type Point = [Length, Length];

/** The corners of a polygon in order. */
export type Outline = Point[];

/**
 * How much a place is looked at: focal is what one sees first, hidden what a door or
 * furniture covers. Default: plain.
 */
export type Sight = "plain" | "focal" | "hidden";

/** A height over the datum at a wall's left and right end; one length stands for both. */
export type Span = Length | {
  /** At the left end. */
  left: Length;
  /** At the right end. */
  right: Length;
};

/**
 * How far the head of each stands to the right of its foot, measured with a plumb line;
 * negative to the left.
 */
export interface Leans {
  /** At the left: of an end of the room, or in the plane of the wall on a corner's left. */
  left?: Length;
  /** At the right: of an end of the room, or in the plane of the wall on a corner's right. */
  right?: Length;
}

/**
 * The fold at a wall's right end. As text: inside, outside, inside 135, outside 270 (the
 * angle is measured through the room).
 */
export type Corner = string | {
  /** inside: a fold towards one, as in an ordinary room; outside: away, as on a chimney breast. */
  kind?: "inside" | "outside";
  /**
   * Through the room: less than 180° inside, more outside. Without it, the corner was not
   * measured and is taken for square.
   */
  angle?: Angle;
  lean?: Leans;
  sight?: Sight;
};

/** The walls in the order in which one meets them turning to the right inside the room. */
export interface Room {
  /** Height of the ceiling line over the datum, for walls that say nothing else. */
  height?: Span;
  /** Whether the last wall leads back to the first. */
  closed: boolean;
  /** The corners between walls that say nothing else. Default: inside, taken for square. */
  corner?: Corner;
  /** The walls. */
  walls: Wall[];
  /** Leans at the two ends of an open room. */
  ends?: Leans;
  /** Lengths measured across the room, to check a closed floor plan. */
  diagonals?: Diagonal[];
}

/** A length measured straight across the room. */
export interface Diagonal {
  from: CornerName;
  to: CornerName;
  /** From corner to corner. */
  length: Length;
}

/** A corner by the walls on its left and right: A|B. */
export type CornerName = string;

/** One wall. Its shape is an outline, or what height and floor give. */
export interface Wall {
  /** Unlike all other walls' names. */
  name: Name;
  /** Along the datum, between the feet of its corners. */
  width: Length;
  /** Height of the ceiling line over the datum. Default: the room's. */
  height?: Span;
  /** Height of the floor over the datum. Default: 0. */
  floor?: Span;
  /** The wall as a polygon, for gables, slopes and steps; instead of height and floor. */
  outline?: Outline;
  sight?: Sight;
  /** Whatever keeps paper off the wall. */
  openings?: Opening[];
  /** What is papered round or under. */
  fittings?: Fitting[];
  /** The corner at the wall's right end. Default: the room's. */
  corner?: Corner;
}

/**
 * A door, a window, or anything else that keeps paper off. Its shape is an outline, or left,
 * width, sill and height.
 */
export interface Opening {
  name?: Name;
  /** What it is: furniture is whatever is fitted and stays, panel a stretch with another finish. */
  kind: "door" | "window" | "arch" | "fireplace" | "furniture" | "panel";
  /** Of its left edge, from the wall's left end. */
  left?: Length;
  /** From its left to its right edge. */
  width?: Length;
  /** Of its lower edge over the datum. Default: the floor; a window and a panel must state it. */
  sill?: Length;
  /** From its lower edge to its head. */
  height?: Length;
  /** Its shape, in the wall's coordinates; instead of left, width, sill and height. */
  outline?: Outline;
  /** How far its return goes back from the wall's face. Default: 0. */
  depth?: Length;
  /** Which of its returns are papered. */
  returns?: ("left" | "right" | "head" | "sill")[];
  sight?: Sight;
}

/**
 * A thing on the wall that is papered round or under. Switch the power off before paper is
 * cut at a socket, switch or light.
 */
export interface Fitting {
  name?: Name;
  /** What it is. */
  kind: "socket" | "switch" | "light" | "radiator" | "bracket" | "vent";
  /** Its middle. */
  at: Point;
  /** Its width and height. */
  size: [Length, Length];
}

/** A paper as its label describes it. */
export interface Paper {
  /** Unlike all other papers' names. */
  name: Name;
  /** As hung: trimmed, and after the paste has expanded it. */
  width: Length;
  /** As it comes off the roll, where that differs. */
  dry_width?: Length;
  /** Nominal length of one roll. */
  roll: Length;
  /**
   * Distance along the roll after which the design recurs. Default: none, or what the mark in
   * match says.
   */
  repeat?: Length;
  /** Horizontal repeat. Default: the width. */
  across?: Length;
  /**
   * How the next drop stands against this one: free, straight, half drop, third drop, quarter
   * drop, offset 1/3, offset 32 cm, or the label's mark of repeat and offset, 64/32 cm.
   */
  match: string | number;
  /**
   * What was measured of the design on a few strips laid side by side on the floor, their edges
   * so that the design meets. The plan goes by it, whatever the label says of repeat and match.
   */
  measured?: {
    /** From one motif to the next like it, along one strip. */
    repeat: Length;
    /**
     * By how much lower than in the first strip the same motif stands in the second, the third
     * and so on; negative where it stands higher.
     */
    lower: Length[];
  };
  /** Alternate drops are hung upside down. Default: false. */
  reversing?: boolean;
  /**
   * Which lines of the design the eye holds against the room: none (flowers), level rows
   * (geometric designs), upright ones (stripes), both, or isolated motifs of which none crosses
   * a seam: then each drop is hung a little higher or lower, by the ceiling. With it the
   * program looks how to hang a crooked room; without it everything hangs plumb.
   */
  lines?: "loose" | "level" | "upright" | "both" | "isolated";
  /** Where the leading motif sits in the design. */
  motif?: {
    /** From the paper's left edge. */
    axis: Length;
    /** Of the motif's top, along the repeat from where the design begins. */
    head: Length;
    /** Its height. Default: 0. */
    tall?: Length;
  };
  /**
   * A picture of one width and one repeat, its upper edge where the repeat begins: a PNG, JPEG,
   * GIF or plain SVG file in the job's folder or below it, or one of the demo designs tulips,
   * quince, ginkgo. It is drawn on the sheets and changes no plan.
   */
  picture?: string;
  /**
   * Where the paste goes: on the wall, on the paper, ready on it, or self-adhesive. Default:
   * wall.
   */
  paste?: "wall" | "paper" | "ready" | "self";
  /** Minutes between pasting and hanging. Default: 0. */
  soak_minutes?: number;
  /** Rolls sold together. Default: 1. */
  pack?: 1 | 2 | 3;
  /** Of one pack, with its ISO 4217 currency. */
  price?: string;
  /** The printing run: dye lot or run number. Batches are never mixed on one wall. */
  batch?: string | number;
  /**
   * How far the goods may differ from the label, in parts per thousand. Default: that of EN
   * 233, 15 in both, but 30 in length for friezes shorter than 10 m.
   */
  tolerance?: {
    /** Of the roll's length, in parts per thousand. */
    length: number;
    /** Of the width, in parts per thousand. */
    width: number;
  };
  /** Rolls that can still be had. Default: as many as wanted. */
  available?: number;
  /** Rolls to stay unopened, for repairs, bought beside those that are cut. Default: 0. */
  keep?: number;
  /**
   * Other sizes in which the same paper is sold. Price all sizes or none: with prices the least
   * money is sought, without them the fewest rolls to buy.
   */
  also?: Offer[];
  /**
   * The goods shade: pieces are cut and hung in the order in which they come off the roll, and
   * each roll is used up before the next is begun. Default: false.
   */
  in_order?: boolean;
  /**
   * Rolls and left-overs that are there already, opened and measured. They are used before
   * others are bought.
   */
  rolls?: Roll[];
}

/** A further size in which the paper is sold. */
export interface Offer {
  /** Nominal length of one roll. */
  roll: Length;
  /** Rolls sold together. Default: 1. */
  pack?: 1 | 2 | 3;
  /** Of one pack, with its ISO 4217 currency. */
  price?: string;
  /** Rolls that can still be had. Default: as many as wanted. */
  available?: number;
}

/** A roll that is there, or what is left of one. It has a length, or parts. */
export interface Roll {
  /** What is written on it, unlike the paper's other rolls. */
  name: Name;
  /** Its printing run. Default: that of the label. */
  batch?: string | number;
  /** Its true length, from the leading end: what comes off first when it is unrolled. */
  length?: Length;
  /**
   * From the leading end to the first place where the design begins; less than the repeat.
   * Without it the plan holds wherever that is. With flaws and a repeat it must be there.
   */
  begins?: Length;
  /** Stretches that no piece may touch, from the leading end on. */
  flaws?: Flaw[];
  /**
   * The separate lengths of a roll that comes in two or three, in the order in which they come
   * off it; instead of length.
   */
  parts?: RollPart[];
}

/**
 * A stretch of a roll to be cut out. In a roll of several parts it is measured as if they lay
 * end to end.
 */
export interface Flaw {
  /** From the roll's leading end to where the flaw begins. */
  from: Length;
  /** From the roll's leading end to where it ends. */
  to: Length;
}

/** One of the separate lengths of a roll. */
export interface RollPart {
  /** Its true length. */
  length: Length;
  /**
   * From its own leading end to the first place where the design begins. With a repeat it must
   * be there.
   */
  begins?: Length;
}

/** Which paper goes on which walls, and what is decided already. What is left out is searched. */
export interface Hang {
  /** Of this stretch of walls. */
  name?: Name;
  /** The name of the paper. */
  paper: Name;
  /** The names of neighbouring walls from left to right. Default: all walls. */
  walls?: Name[];
  /** Whether paper goes all the way round. Default: true for all walls of a closed room. */
  closed?: boolean;
  /** Only above this height over the datum, as above a dado rail. */
  from?: Length;
  /** Only below this height over the datum. */
  to?: Length;
  /**
   * This entry is a lining paper under the others, its lengths hung upright, with seams clear
   * of those above, or across. Linings stand last, and their paper has match free. Default: it
   * is no lining.
   */
  lining?: "upright" | "across";
  /** Where hanging begins: edge, centre or middle. */
  start?: {
    wall: Name;
    /**
     * Of the first drop's left edge, from the wall's left end; negative when it turns the corner
     * before.
     */
    edge?: Length;
    /** Of a line to centre on, from the wall's left end. */
    centre?: Length;
    /**
     * What to centre on, by name: an opening or fitting of this wall, two of them for the line
     * between (a pair of windows), or wall.
     */
    middle?: Name[];
    /** What stands on the centre line. Default: a drop or a seam, whichever is better. */
    of?: "drop" | "seam" | "motif";
  };
  /**
   * Where the design of a run all the way round cannot meet: a corner, a place on a wall, or
   * anywhere over an opening.
   */
  kill?: {
    corner?: CornerName;
    /** The side of the corner whose drop turns it by the overlap. Without it, whichever is better. */
    lap?: "left" | "right";
    wall?: Name;
    /** From the wall's left end. */
    at?: Length;
    /** The name of the opening. */
    opening?: Name;
  };
  /**
   * Height of the design: which part of the repeat the first drop shows at the datum, from
   * where the design begins.
   */
  design?: Length;
  /** Inside corners in which a new drop must begin. */
  new_drop?: CornerName[];
  /** Inside corners in which none may. */
  carry?: CornerName[];
  /** Stretches of wall on which no seam may stand. */
  keep_off?: {
    wall: Name;
    /** From the wall's left end. */
    from: Length;
    to: Length;
  }[];
  /**
   * equal: panels of one width from end to end, as goods whose seams show are hung: each cut to
   * that width off both edges. Walls are divided from inside corner to inside corner, each
   * stretch by itself, so that one entry does for a room; outside corners between are to be
   * plumb, the match of the paper free. Default: drops of full width.
   */
  panels?: "equal";
  /** With panels: what is cut off each edge at the least. Default: 0. */
  trim?: Length;
  /**
   * Walls that hang already, with the left edge of one drop where start says. The rest is
   * searched, and no kill seam is put on them.
   */
  hung?: Name[];
  /**
   * What the drops of a wall are set to where the room is crooked. Walls not named hang plumb,
   * or as is best where the paper says its lines.
   */
  set_to?: {
    wall: Name;
    /**
     * Plumb; parallel to the ceiling; with their edges parallel to a casing; or as the drops of
     * the wall on the left or right, matched all down the corner.
     */
    to: "plumb" | "ceiling" | "casing" | "left" | "right";
    /** For casing: the name of the door or window. */
    opening?: Name;
    /** For casing: which side of it. Default: left. */
    side?: "left" | "right";
    /**
     * Where the design's height comes from: kept level with the datum in the middle of the wall,
     * or matched in the corner on the left or right. Default: datum.
     */
    design?: "datum" | "left" | "right";
  }[];
}

/** The measures of whoever hangs. */
export interface Rules {
  /**
   * Surplus at head and foot of every piece, trimmed on the wall; one length stands for both.
   * Default: 50 mm each, imperial 2 in (common practice).
   */
  allowance?: Length | {
    /** At the head. */
    head: Length;
    /** At the foot. */
    foot: Length;
  };
  /**
   * Paper turned round an inside corner under the next part; 0: cut in the corner. Default: 12
   * mm, imperial 1/2 in (published advice runs from 1/16 in to 1 in).
   */
  wrap?: Length;
  /**
   * A remainder up to this turns an inside corner whole. Default: 25 mm, imperial 1 in (common
   * practice).
   */
  wrap_limit?: Length;
  /**
   * Paper kept round an outside corner out of plumb, before the cut. Default: 50 mm, imperial 2
   * in (common practice).
   */
  outside_wrap?: Length;
  /**
   * An outside corner leaning no more than this is papered round in one. Default: 3 mm,
   * imperial 1/8 in (common practice).
   */
  plumb_tolerance?: Length;
  /**
   * Paper turned round the corner by the drop hung first. Default: 25 mm, imperial 1 in (common
   * practice).
   */
  start_overlap?: Length;
  /** Lengths to cut are rounded up to this. Default: 1 mm, imperial 1/16 in. */
  cut_step?: Length;
  /**
   * A strip narrower than this at a corner or opening is a sliver. Default: 100 mm, imperial 4
   * in (common practice).
   */
  min_sliver?: Length;
  /**
   * No seam nearer than this to an outside corner or an opening. Default: 50 mm, imperial 2 in
   * (published advice: 2 in).
   */
  seam_clearance?: Length;
  /**
   * A drop over an opening that runs past its edge by less than this is found fault with.
   * Default: 127 mm (5 in, the larger of two published cases).
   */
  overrun?: Length;
  /** A longer piece takes two to hang. Default: 3500 mm, imperial 11 ft 6 in (common practice). */
  long_piece?: Length;
  /**
   * Above the floor; misfits higher up count half. Default: 1600 mm, imperial 5 ft 3 in (common
   * practice).
   */
  eye_level?: Length;
}

/** How rolls are cut, and what a cutting plan is to have. */
export interface Cutting {
  /** Of each roll's beginning, not used: creased or dirty outer windings. Default: 0 mm. */
  lead?: Length;
  /** Lost at each cut, where ends are squared or trimmed. Default: 0 mm. */
  loss?: Length;
  /**
   * What stays free between narrow pieces cut side by side from one length, for straight edge
   * and blade. Default: 10 mm, imperial 3/8 in (common practice).
   */
  blade?: Length;
  /**
   * By how much such a piece is wider than it hangs at an edge that is slit, to be trimmed in
   * its place. Default: 13 mm, imperial 1/2 in (published advice on the last piece into a
   * corner: 1/2 to 1 in).
   */
  slit_over?: Length;
  /**
   * Every piece is cut from a length of its own, and narrow ones never side by side. Default:
   * false.
   */
  alone?: boolean;
  /**
   * What is wanted of a cutting plan, most wanted first: rolls (few to buy, or little money),
   * leftover (one long piece that can patch any drop), changes (few changes of roll from one
   * drop to the next). leftover cannot come first; what is left out is not sought. Default:
   * rolls, leftover, changes.
   */
  goals?: ("rolls" | "leftover" | "changes")[];
}

/** How much each finding counts when layouts are compared, in thousandths of a roll. */
export interface Weights {
  /** A roll. Default: 1000. */
  roll?: number;
  /** A sliver at its narrowest. Default: 400. */
  sliver?: number;
  /** A seam on the edge of an outside corner or opening. Default: 300. */
  seam_near?: number;
  /** A seam down the middle of a focal wall. Default: 60. */
  focal_seam?: number;
  /** A metre of kill seam in plain sight that misses. Default: 150. */
  kill_metre?: number;
  /** A leading motif cut at a ceiling line, for each drop. Default: 100. */
  motif_cut?: number;
  /** A drop that ends exactly in an inside corner. Default: 150. */
  end_in_fold?: number;
  /** A drop more to handle. Default: 12. */
  drop?: number;
  /** A piece more to handle. Default: 4. */
  piece?: number;
  /**
   * A millimetre that rows of the design run off a ceiling, over the wall, where the paper says
   * level lines; an eighth for other lines. Default: 6.
   */
  drift?: number;
  /**
   * A millimetre that edges run off plumb over the wall's height; a quarter for a paper with
   * lines, an eighth for a loose one. Default: 3.
   */
  off_plumb?: number;
  /**
   * A millimetre that edges run off a casing over the wall's height, where the paper says
   * upright lines; a quarter for level ones, an eighth for loose ones. Default: 8.
   */
  off_casing?: number;
  /** A millimetre that the design steps up or down in a corner. Default: 3. */
  corner_step?: number;
  /** An inside corner in sight between walls set in different ways. Default: 20. */
  mixed_ways?: number;
  /** A millimetre of misfit in a leaning corner. Default: 2. */
  wedge?: number;
  /** A corner at which another batch begins. Default: 500. */
  batch_change?: number;
  /** A sliver between a seam and an opening, at its narrowest. Default: 150. */
  sliver_beside?: number;
  /**
   * A drop over an opening that runs past its edge by little and is cut full length for it.
   * Default: 40.
   */
  overrun?: number;
  /** A metre of corner in plain sight where a new drop misses. Default: 150. */
  renew_metre?: number;
  /** The leading motif as far off its centre as it can be. Default: 120. */
  off_centre?: number;
  /** End strips of a focal wall that differ by a whole width. Default: 100. */
  unequal_ends?: number;
  /** A leading motif cut at a rail, a sill or a head. Default: 15. */
  motif_cut_low?: number;
  /** A lap in a corner that turns its edge away from the nearest window. Default: 10. */
  lap_shadow?: number;
  /** A seam on a seam of the lining. Default: 120. */
  lining_seam?: number;
  /** A seam across a socket, switch, light, bracket or vent. Default: 20. */
  seam_fitting?: number;
  /** A piece that is hard to handle. Default: 15. */
  awkward?: number;
}
