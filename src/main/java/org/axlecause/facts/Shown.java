package org.axlecause.facts;

/** A fact that can be named to a person as a reason, in a few words. */
public interface Shown {

    /** The fact in words, with its place, value and unit. */
    String shown();
}
