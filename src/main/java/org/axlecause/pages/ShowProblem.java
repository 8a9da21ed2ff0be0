package org.axlecause.pages;

import jakarta.enterprise.context.ApplicationScoped;
import org.axlecause.shared.Problem;
import org.axlecause.shared.ProblemPage;

/** Shows on a page what a problem document says. */
@ApplicationScoped
class ShowProblem implements ProblemPage {

    private final Frames frames;

    ShowProblem(Frames frames) {
        this.frames = frames;
    }

    @Override
    public String html(Problem problem, String session) {
        return Pages.problem(frames.ofProblem(session), problem).render();
    }
}
