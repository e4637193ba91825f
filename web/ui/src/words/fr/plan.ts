import type { plan as british } from "../en-GB/plan";
import type { Message } from "../text";

export const plan: Record<keyof typeof british, Message> = {};
