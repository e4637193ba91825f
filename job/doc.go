// Package job answers the question: what do we keep?
//
// A [Job] is one document: a room as it was measured, papers as their labels
// describe them, what goes where, and the rules of whoever hangs it. People
// write it as YAML, programs as JSON; both have the same structure, which
// [Schema] publishes, and one reader. A plan is never kept: it can always be
// derived again from the job, by way of [Job.Task].
//
// Nothing is guessed silently. [Read] reports every problem of a document at
// once, each as file:line:column with what is wrong and what would be right.
// Keys that it does not know are refused, with the nearest one it does know. A
// number without a unit takes the job's unit, and is refused when the job states
// none; numbers are read from the text as it stands, so that 012 is twelve and
// 1_000 is refused.
//
// [Job.WriteJSON] prints a job so that reading it gives the same job again: every
// length exact and with its unit. Comments and the notation that the writer chose
// (250.2 cm for 2502 mm) are not kept. The reader sees a document as a [Node],
// which a [Notation] makes of a text; that of people stands in package job/yaml.
//
// Defaults belong to the version of the format. Changing one makes a new
// version, since the same job must always give the same plan.
package job
