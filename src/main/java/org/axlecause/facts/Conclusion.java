package org.axlecause.facts;

/** What a rule concludes; always with its ground. */
public interface Conclusion extends Shown {

    /** The rule and the facts behind it. */
    Because because();
}
