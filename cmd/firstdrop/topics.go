package main

// topics are the pages of help that belong to no command.
var topics = []string{"exit-codes", "words", "opened", "safety", "rules"}
