package org.axlecause.shared;

import io.quarkus.vertx.http.HttpServerStart;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.ObservesAsync;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;

/** Says where to look, once the service can be reached. */
@ApplicationScoped
class StartNotice {

    private static final Logger LOG = Logger.getLogger("axlecause");

    private final String dataFolder;
    private final String database;

    StartNotice(
            @ConfigProperty(name = "axlecause.data-dir") String dataFolder,
            @ConfigProperty(name = "quarkus.datasource.jdbc.url") String database) {
        this.dataFolder = dataFolder;
        this.database = withoutParameters(database);
    }

    /** Parameters of an address may carry a password. */
    private static String withoutParameters(String address) {
        int question = address.indexOf('?');
        return question < 0 ? address : address.substring(0, question);
    }

    void whenServing(@ObservesAsync HttpServerStart started) {
        String address = "http://" + started.options().getHost() + ":"
                + started.options().getPort();
        LOG.infof("Axlecause serves at      %s", address);
        LOG.infof("  health                 %s/q/health", address);
        LOG.infof("  contract               %s/q/openapi", address);
        LOG.infof("  data folder            %s", dataFolder);
        LOG.infof("  database               %s", database);
    }
}
