package org.axlecause.inference;

import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Alternative;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;

/**
 * The rule base of the service under test, compiled from the same files: the build of the engine's extension compiles no
 * rules for a test. The packaged service is tested with the rules that its build compiled.
 */
@Alternative
@Priority(1)
@ApplicationScoped
class RulesFromFiles {

    @Produces
    @Singleton
    RuleBase ruleBase() {
        return RuleBench.all();
    }
}
