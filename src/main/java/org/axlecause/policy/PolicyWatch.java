package org.axlecause.policy;

/** Is told of each published version, inside its transaction: what it stores stands or falls with the publication. */
public interface PolicyWatch {

    /** A version was published. */
    void published(PolicyVersion version);
}
