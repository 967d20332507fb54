# Debian packages by CPack. Configure with -DCMAKE_INSTALL_PREFIX=/usr (packaging/package does).
set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME seamtakt)
set(CPACK_PACKAGE_VENDOR "Seamtakt contributors")
set(CPACK_PACKAGE_CONTACT "Seamtakt contributors <root@localhost>")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
set(CPACK_COMPONENTS_ALL cli dev)
if(SEAMTAKT_GUI)
  list(APPEND CPACK_COMPONENTS_ALL desk)
endif()
set(CPACK_DEB_COMPONENT_INSTALL ON)
set(CPACK_COMPONENTS_GROUPING ONE_PER_GROUP)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_CONTROL_STRICT_PERMISSION ON)
# Folders that nothing lists would be made with the umask of whoever packs.
set(CPACK_INSTALL_DEFAULT_DIRECTORY_PERMISSIONS OWNER_READ OWNER_WRITE OWNER_EXECUTE GROUP_READ GROUP_EXECUTE WORLD_READ WORLD_EXECUTE)

# CPack begins each line with a blank, and puts a dot into an empty one.
set(what "Plans robot weld cells: from the drawing's fillet to weld schedule, heat
input, cooling time, distortion, robot timeline and takt, and to the
audited arc log. All results are estimates; the governing code and a
responsible welding coordinator decide.
")

set(CPACK_DEBIAN_CLI_PACKAGE_NAME seamtakt)
set(CPACK_DEBIAN_CLI_PACKAGE_SECTION science)
set(CPACK_DEBIAN_CLI_PACKAGE_SHLIBDEPS ON)
# Opened at run time, where a store is in PostgreSQL: no tool sees that.
set(CPACK_DEBIAN_CLI_PACKAGE_DEPENDS libpq5)
set(CPACK_DEBIAN_CLI_PACKAGE_SUGGESTS seamtakt-desk)
set(CPACK_DEBIAN_CLI_DESCRIPTION "planner for robot weld cells, command line
${what}
This package has the command line, its manual and a demonstration plan.")

set(CPACK_DEBIAN_DESK_PACKAGE_NAME seamtakt-desk)
set(CPACK_DEBIAN_DESK_PACKAGE_SECTION science)
set(CPACK_DEBIAN_DESK_PACKAGE_SHLIBDEPS ON)
# Icons are SVG by a plug-in, which no tool sees; the demonstration plan is the command line's.
set(CPACK_DEBIAN_DESK_PACKAGE_DEPENDS "seamtakt (= ${PROJECT_VERSION}), libpq5, libqt6svg6, fonts-dejavu-core")
set(CPACK_DEBIAN_DESK_PACKAGE_RECOMMENDS "qt6-wayland, qt6-translations-l10n")
set(CPACK_DEBIAN_DESK_DESCRIPTION "planner for robot weld cells, desk
${what}
This package has the desk, a window over the same plan and records.")

set(CPACK_DEBIAN_DEV_PACKAGE_NAME libseamtakt-dev)
set(CPACK_DEBIAN_DEV_PACKAGE_SECTION libdevel)
set(CPACK_DEBIAN_DEV_PACKAGE_DEPENDS "libeigen3-dev, libminizip-dev, libpugixml-dev, libqrencode-dev, libsqlite3-dev,\
 libssl-dev, libutf8proc-dev, libxlsxwriter-dev, nlohmann-json3-dev, pkg-config, zlib1g-dev")
set(CPACK_DEBIAN_DEV_PACKAGE_SUGGESTS cmake)
set(CPACK_DEBIAN_DEV_DESCRIPTION "planner for robot weld cells, development files
${what}
This package has the static library and its headers, which CMake finds by
find_package(Seamtakt).")

# Each package says its licence and its changes.
string(TIMESTAMP SEAMTAKT_CHANGED_ON "%a, %d %b %Y %H:%M:%S +0000" UTC)
foreach(component IN LISTS CPACK_COMPONENTS_ALL)
  string(TOUPPER ${component} upper)
  set(SEAMTAKT_PACKAGE ${CPACK_DEBIAN_${upper}_PACKAGE_NAME})
  set(folder ${CMAKE_CURRENT_BINARY_DIR}/${SEAMTAKT_PACKAGE})
  configure_file(${CMAKE_CURRENT_LIST_DIR}/changelog.in ${folder}/changelog @ONLY)
  execute_process(COMMAND gzip -9nf ${folder}/changelog COMMAND_ERROR_IS_FATAL ANY)
  install(FILES ${folder}/changelog.gz ${CMAKE_CURRENT_LIST_DIR}/copyright
          DESTINATION ${CMAKE_INSTALL_DATADIR}/doc/${SEAMTAKT_PACKAGE} COMPONENT ${component})
endforeach()
include(CPack)
