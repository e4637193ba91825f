import type { solid as british } from "../en-GB/solid";
import type { Message } from "../text";

export const solid: Record<keyof typeof british, Message> = {};
