package org.axlecause.pages;

/** How the words inside a chart are drawn. */
enum Lettering {
    /** As text: a screen can read and search it. */
    TEXT,
    /** As outlines of the sheet's own type: paper shows the same everywhere. */
    OUTLINES
}
