package org.axlecause.shared;

/** Shows a refusal or a fault to a person. */
public interface ProblemPage {

    /** The page that says it. */
    String html(Problem problem);
}
