// Package yaml answers the question: how is a job written for people?
//
// It is the [job.Notation] of files that people write and read by hand, and
// stands apart from package job so that programs that only speak JSON need no
// reader of YAML.
package yaml
