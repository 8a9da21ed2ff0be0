package org.axlecause.casefile;

/** Is told what a judgement has changed, inside its transaction: what it stores stands or falls with the judgement. */
public interface CaseWatch {

    /** A locked case was judged, and its judgement is kept. */
    void judged(CaseChange change);
}
