package org.axlecause.pages;

/** What a sheet is read on. */
public enum Medium {
    /** A page of this service, which leads back to the case. */
    PAGE,
    /** A file, which leads nowhere since nobody knows where it is read. */
    FILE,
    /** Paper, which says at the foot of each page that it is advice. */
    PAPER;

    /** Whether one can go back to the case from it. */
    public boolean isPage() {
        return this == PAGE;
    }

    /** Whether it is printed by this service. */
    public boolean isPaper() {
        return this == PAPER;
    }

    Lettering lettering() {
        return this == PAPER ? Lettering.OUTLINES : Lettering.TEXT;
    }
}
