// A cook's own notes and transcripts of manuscripts, as plain text with a few marks (CommonMark's, where it has them):
//
//   ---                      what is known of the book, as NAME: VALUE lines for the shelf list, between two rules at
//   title: Gran's copybook   the very beginning; may be left out
//   date: 1923~
//   ---
//   # Puddings               a chapter (a recipe where there is no second rank of heads)
//   ## Apple Snow            a recipe
//   - 3 apples               an item of a list; "*" and "+" as well
//   1. Pare the apples.      a step; it becomes a paragraph
//   Words follow words over  a paragraph; an empty line ends it, two spaces at a line's end keep the line
//   the line's end.
//   -- Mrs. Tolliver         whose receipt it is, on a line of its own
//   > Too sweet for us.      the cook's own remark; no part of the receipt's directions
//   [p. 12]                  a page of the manuscript begins; a roman number will do
//   [?butter]  [...]         a word that could not be read for sure; words that could not be read
//   *slanted*  **heavy**     typography
//
// A file is taken for such notes when its name ends in .md, .markdown or .notes. Internal to the room.
#pragma once
