// Package audit answers the question: is the plan true?
//
// [Plan] takes a finished plan and works out every promise of it again, by a
// second road: it walks each wall column by column instead of marching from
// drop to drop, derives every design height from the label, replays every cut,
// and proves the bound on the rolls anew. It shares no planning code. It reads
// the result types of hanging, cutting and plan and the data of room and paper,
// and calls none of their functions, [cutting.Problem.Spec] apart, which hands
// out what was asked. What it finds wrong is a [Violation]: a plan with one is
// not shown, printed or saved.
//
// What is judged, and against what:
//
//   - every point to be papered is covered, and by one sheet only, overlaps at
//     corners and laps beside a leaning sheet aside;
//   - parts are rigid, lie within their drop's width, and follow one another;
//   - corners are treated by the rules of the craft, and every seam is listed
//     where it stands with exactly the misfit that the sheets have there;
//   - every sheet cut loose has its plumb line;
//   - pieces cover what they must with their allowances, at the right design
//     height, and hang in an order in which each meets one that hangs;
//   - what is cut from is the rolls of the batch, as they were found when they
//     were opened, and the sizes to be had; each piece comes from one batch, and
//     batches meet in inside corners only;
//   - narrow pieces lie side by side on their strip, each at its phase and in its
//     stretch of the width, if that saves something;
//   - cuts lie on unbroken stretches of their roll, apart, in length and at the
//     right phase, whatever the roll begins with; goods that shade come off in
//     their order; no roll can carry more than the certificate says;
//   - costs, goals, quantities, and what people are told of the rolls, are true.
//
// Some claims may be beyond proof and are then taken on trust; [Trusted] names
// them: rolls, costs or changes of roll excluded by a complete search, a capacity that holds only
// for sets of pieces that fit every start, where there are too many to look at,
// and the least cost of cutting in order, where there are too many ways to.
// The bound on the longest left-over is not proven here, only held against what is reached.
package audit
