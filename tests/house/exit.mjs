process.exit(Number(process.argv[2]));
