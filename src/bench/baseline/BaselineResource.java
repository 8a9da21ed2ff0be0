package org.axlecause.baseline;

import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.UUID;
import javax.sql.DataSource;

/** The least that a service can do with an event: body in, one row inserted, 201 out. */
@Path("/rows")
public class BaselineResource {

    private static final String INSERT = "INSERT INTO baseline_row (id, body) VALUES (?, ?::jsonb)";

    private final DataSource dataSource;

    BaselineResource(DataSource dataSource) {
        this.dataSource = dataSource;
    }

    @POST
    @Blocking
    @Consumes("application/cloudevents+json")
    public Response keep(String body) throws SQLException {
        try (Connection connection = dataSource.getConnection();
                PreparedStatement insert = connection.prepareStatement(INSERT)) {
            insert.setObject(1, UUID.randomUUID());
            insert.setString(2, body);
            insert.executeUpdate();
        }
        return Response.status(Response.Status.CREATED).build();
    }
}
