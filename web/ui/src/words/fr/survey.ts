import type { survey as british } from "../en-GB/survey";
import type { Message } from "../text";

export const survey: Record<keyof typeof british, Message> = {};
