// Package cutting answers the question: which piece from which roll?
//
// A [Problem] holds the pieces to cut, each with its length and the design
// phase at its leading end, and the rolls on offer: one kind in any number, or
// a [Stock] of several with lengths, counts, prices, flaws and left-overs in
// hand. [Solve] returns a [Solution]: fewest rolls or least cost, every cut
// from–to, a lower bound with a [Certificate] in whole numbers, and whether the
// two meet. A [Goal] asks for more: the longest left-over, few changes of roll. Goods that
// shade are cut in order.
//
// The package knows neither walls nor drops nor paper; it is exact stock
// cutting in one dimension, with or without a design that repeats. Where a
// roll's phase at the beginning is not known, as before an order, the plan
// holds for every phase, exactly, and not by allowing a repeat per roll.
//
// Pieces narrower than the paper may share a length of it side by side:
// SideBySide finds which, cuts the rest around them, and proves that no other
// way of putting them together needs fewer rolls.
//
// Reading order: problem.go and stock.go say what is asked, network.go why few
// positions matter, order.go and starts.go when pieces fit one roll,
// catalogue.go, priced.go and gaps.go which sets fit from every start; price.go,
// news.go, columns.go and certificate.go make the bound; greedy.go, pooled.go,
// dive.go, search.go, closing.go and reprogram.go the plan; leftover.go, changes.go and goalorder.go
// pursue goals;
// alike.go, rollsets.go, hangnet.go, hanglp.go and hangbranch.go do where many
// rolls must be returned to, and hangproof.go proves it on paper; changesfirst.go puts
// changes before rolls; mixed.go, mixedprice.go, mixedpool.go and
// mixedrest.go do it all again for several kinds of roll, mixedgoals.go,
// mixedleft.go and mixedhang.go pursue goals there; inorder.go is about goods
// that shade; solve.go chooses. For narrow pieces: narrow.go, striptypes.go,
// nestbound.go, nesting.go.
package cutting
