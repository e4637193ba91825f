// Package web answers the question: how do other programs, and the browser, get
// at jobs and plans?
//
// A [Server] hands out the front end, and under /api what belongs to it: jobs with
// their history, plans, checks, sheets and lists. The operations describe
// themselves in an OpenAPI document at /api/openapi.json, and every error is a
// problem as RFC 9457 has it, with the place in the document where there is one.
//
//	request ──► log ──► headers ──► Host, origin ──► token ──► /api      ──► store
//	                                                      └──► /         front end
//	                                 plans wait in a bounded line ──► planner
//
// A plan is never kept: it is made again from the document, and remembered for a
// while. Nothing that a request says becomes the name of a file.
package web
