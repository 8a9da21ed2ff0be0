package org.axlecause.casefile;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import java.nio.file.Path;
import java.util.Optional;
import org.axlecause.diagnosis.CauseModel;
import org.axlecause.inference.RuleBase;
import org.axlecause.judgement.Judge;
import org.axlecause.regimes.Regimes;
import org.axlecause.repair.PlanRepair;
import org.axlecause.repair.RepairCatalogue;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * Reads the knowledge of the rules folder once, when the service starts; a wrong file stops the start, before anything is
 * judged or written.
 */
@Startup(Knowledge.BEFORE_ALL_ELSE)
@ApplicationScoped
class Knowledge {

    static final int BEFORE_ALL_ELSE = 1;

    private final Regimes regimes;
    private final CauseModel causeModel;
    private final Judge judge;

    Knowledge(RuleBase rules, @ConfigProperty(name = "axlecause.regimes-dir") Optional<Path> regimesFolder) {
        this.regimes = regimesFolder.map(Regimes::releasedAnd).orElseGet(Regimes::released);
        this.causeModel = CauseModel.load();
        StatisticsTerms.released();
        this.judge = new Judge(rules, regimes, causeModel, new PlanRepair(RepairCatalogue.onClassPath()));
    }

    @Produces
    @Singleton
    Regimes regimes() {
        return regimes;
    }

    @Produces
    @Singleton
    CauseModel causeModel() {
        return causeModel;
    }

    @Produces
    @Singleton
    Judge judge() {
        return judge;
    }
}
