package org.axlecause.shared;

/** Shows a refusal or a fault to a person. */
public interface ProblemPage {

    /**
     * The page that says it.
     *
     * @param session the session of the browser; empty for none
     */
    String html(Problem problem, String session);
}
